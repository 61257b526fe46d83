package cistern.architecture.broken.bands;

import java.awt.Color;

/** Medicine that knows a colour. */
record PaintsWithAwt(Color ink) {}
