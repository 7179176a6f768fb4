/** Version of the program; the package's own. A test keeps the two equal. */
export const VERSION = "0.4.0";
