package cistern.architecture.broken.orchard;

/** Lives in a room that nobody drew. */
record Apple() {}
