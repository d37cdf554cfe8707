/** Bounds on a survey file. A coach of two thousand circuits is far inside them; a file past them is some other file. */
export const MAX_FILE_BYTES = 64 * 1024 * 1024;
export const MAX_UNPACKED_BYTES = 256 * 1024 * 1024;
export const MAX_ROWS = 200_000;
export const MAX_COLUMNS = 256;

export const megabytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MB`;
