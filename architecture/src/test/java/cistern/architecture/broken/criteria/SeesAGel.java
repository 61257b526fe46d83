package cistern.architecture.broken.criteria;

import cistern.architecture.broken.gel.Gel;

/** An arrow to a neighbour's house. */
record SeesAGel(Gel gel) {}
