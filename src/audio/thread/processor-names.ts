/** Name under which the audio thread's processor is registered and asked for. */
export const LISTEN_PROCESSOR = 'evenhand-listen'
