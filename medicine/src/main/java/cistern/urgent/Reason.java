package cistern.urgent;

/**
 * Why a trigger holds.
 *
 * @param text in words, with the value
 * @param finding the finding or the input, as named in files
 */
record Reason(String text, String finding) {}
