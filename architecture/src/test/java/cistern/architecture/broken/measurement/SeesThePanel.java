package cistern.architecture.broken.measurement;

import cistern.architecture.broken.panel.Panel;

/** An arrow upwards, and one half of a circle. */
record SeesThePanel(Panel panel) {}
