package cistern.architecture.broken.gel;

/** What the criteria must not see. */
public record Gel() {}
