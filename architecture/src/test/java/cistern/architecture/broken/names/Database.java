package cistern.architecture.broken.names;

/** A word of the trade that begins like one that says nothing. */
record Database() {}
