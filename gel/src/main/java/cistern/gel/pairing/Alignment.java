package cistern.gel.pairing;

/**
 * Where a row of the CSF lane lies in the serum lane: a shift and a small stretch.
 *
 * @param shift rows at the pivot
 * @param stretch rows per row
 * @param pivot row without stretch
 * @param weight share of the belief among the alignments kept
 * @param strain how far it departs from what was foretold: half the squared standard deviations
 */
record Alignment(double shift, double stretch, double pivot, double weight, double strain) {
  double toSerum(double csfRow) {
    return csfRow + shift + stretch * (csfRow - pivot);
  }

  double toCsf(double serumRow) {
    return pivot + (serumRow - shift - pivot) / (1 + stretch);
  }

  Alignment withWeight(double w) {
    return new Alignment(shift, stretch, pivot, w, strain);
  }
}
