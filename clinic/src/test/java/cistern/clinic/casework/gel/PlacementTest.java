package cistern.clinic.casework.gel;

import static org.assertj.core.api.Assertions.assertThat;

import cistern.gel.lanes.LanePlan;
import org.junit.jupiter.api.Test;

class PlacementTest {

  @Test
  void placement_howeverMuchStoodInTheForm_isReadBack() {
    String form = "keep=" + "2-13+".repeat(4000);
    String lanes = "csf:1@100.5/20,serum:1@130.5/20" + ",control@160.2/20.5".repeat(400);
    Placement placement = new Placement(LanePlan.parse(lanes), 1, form);

    assertThat(Placement.parse(placement.toText())).contains(placement);
  }

  @Test
  void placement_thatIsNone_isNothing() {
    assertThat(Placement.parse("1=csf,tears;")).isEmpty();
    assertThat(Placement.parse("one=csf,serum;")).isEmpty();
  }
}
