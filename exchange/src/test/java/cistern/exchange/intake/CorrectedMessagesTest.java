package cistern.exchange.intake;

import static cistern.exchange.intake.Hl7IntakeTest.message;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Results that a later message withdraws or replaces, by the states of OBX-11; invented data. */
class CorrectedMessagesTest {

  @ParameterizedTest
  @ValueSource(strings = {"D", "W", "X"})
  void read_resultThatALaterMessageWithdraws_isNotUsed(String status) {
    String first = message("NM|1746-7^Albumin^LN||220|mg/L|||||F");
    String later =
        message("NM|1746-7^Alb^LN||220|mg/L|||||" + status, "NM|2464-6^IgG^LN||30|mg/L|||||F");
    Read read = Read.of(first + later);
    assertThat(read.values()).containsExactly("igg.csf 30.0");
    assertThat(read.problems()).containsExactly("cancelled", "cancelled");
  }

  @Test
  void read_resultSentAnewAfterItsWithdrawal_isUsed() {
    String first = message("NM|1746-7^Albumin^LN||220|mg/L|||||F");
    String later = message("NM|1746-7^Alb^LN||220|mg/L|||||W", "NM|1746-7^Alb^LN||260|mg/L|||||F");
    assertThat(Read.of(first + later).values()).containsExactly("albumin.csf 260.0");
  }

  @Test
  void read_cancelledResultOfAnotherDraw_withdrawsNothing() {
    String first = message("NM|1746-7^Albumin^LN||220|mg/L|||||F");
    String later =
        message("NM|1746-7^Alb^LN|||mg/L|||||X", "NM|2464-6^IgG^LN||30|mg/L|||||F")
            .replace("20310302", "20310609");
    Read read = Read.of(first + later);
    assertThat(Read.values(read.workup(0))).containsExactly("albumin.csf 220.0");
    assertThat(Read.values(read.workup(1))).containsExactly("igg.csf 30.0");
  }

  @ParameterizedTest
  @CsvSource({"haemolysed|mg/L, value-not-understood", "|mg/L, no-value", "24|, unit-missing"})
  void read_amendedResultThatIsNotUnderstood_stillReplacesTheFirst(String amended, String why) {
    String first =
        message("NM|1746-7^Albumin^LN||22|mg/dL|||||F", "NM|2464-6^IgG^LN||3|mg/dL|||||F");
    String later = message("ST|1746-7^Alb^LN||" + amended + "|||||C");
    Read read = Read.of(first + later);
    assertThat(read.values()).containsExactly("igg.csf 30.0");
    assertThat(read.problems()).containsExactlyInAnyOrder(why, "replaced");
  }
}
