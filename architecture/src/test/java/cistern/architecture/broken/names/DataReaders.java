package cistern.architecture.broken.names;

/** A word that says nothing at the front of a name. */
record DataReaders() {}
