package cistern.architecture.broken.names;

/** A name that says nothing. */
record PanelManager() {}
