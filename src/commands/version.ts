/** Version of the program; a test holds it to that of the package. */
export const VERSION = '0.1.0';
