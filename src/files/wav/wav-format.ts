/**
 * Numbers of the RIFF/WAVE format that the reader and the writer share.
 * Sources: Microsoft/IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), "Waveform Audio
 * File Format"; Microsoft, Multiple Channel Audio Data and WAVE Files (2001), for WAVE_FORMAT_EXTENSIBLE;
 * RFC 2361 for the registry of format tags.
 */
export const FORMAT_TAG = { pcm: 1, float: 3, aLaw: 6, muLaw: 7, extensible: 0xfffe } as const

/** Bytes of the 'fmt ' chunk: plain, and extensible. */
export const FMT_BYTES = 16
export const EXTENSIBLE_FMT_BYTES = 40

/** Where, within an extensible 'fmt ' chunk, the format tag stands that opens its sub-format GUID. */
export const SUB_FORMAT_OFFSET = 24

/** The 14 bytes that follow the format tag in a sub-format GUID: xxxx0000-0000-0010-8000-00AA00389B71. */
export const SUB_FORMAT_TAIL: readonly number[] = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71]

/** Size field of a chunk whose length was not known when its header was written. */
export const SIZE_UNKNOWN = 0xffffffff
