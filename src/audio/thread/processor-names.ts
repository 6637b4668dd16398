/** Names under which the audio thread's processors are registered and asked for. */
export const LISTEN_PROCESSOR = 'evenhand-listen'
export const DELIVER_PROCESSOR = 'evenhand-deliver'
