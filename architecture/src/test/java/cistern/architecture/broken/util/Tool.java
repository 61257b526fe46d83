package cistern.architecture.broken.util;

/** Lives in a layer. */
record Tool() {}
