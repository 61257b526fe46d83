package cistern.cli;

/**
 * A result that can be written as it is.
 *
 * @param id the id of the work-up
 * @param bytes the whole of it
 */
record RenderedResult(String id, byte[] bytes) {}
