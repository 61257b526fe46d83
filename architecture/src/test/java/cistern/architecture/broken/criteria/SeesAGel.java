package cistern.architecture.broken.criteria;

import cistern.architecture.broken.gel.Gel;
import java.util.List;

/** An arrow that goes through an array and a list. */
final class SeesAGel {

  private SeesAGel() {}

  static int count(Gel[] gels, List<Gel> more) {
    return gels.length + (more.contains(new Gel()) ? 1 : 0);
  }
}
