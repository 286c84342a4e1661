/** As in package.json; a test holds the two together, so that printing it reads no file. */
export const VERSION = '0.1.0';
