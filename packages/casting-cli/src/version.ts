/** The program's version, that of its package; a test holds the two and the library's together. */
export const VERSION = "0.4.0";
