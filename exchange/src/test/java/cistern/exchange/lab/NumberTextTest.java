package cistern.exchange.lab;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Values as laboratories write them; the forms are common practice, no source. */
class NumberTextTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "220;VALUE;220",
        "3.00;VALUE;3.00",
        "<0.3;BELOW;0.3",
        "> 90;ABOVE;90",
        "≤ 5;BELOW;5",
        ".5;VALUE;0.5",
        "+7;VALUE;7",
        "007.50;VALUE;7.50",
        "1:40;TITRE;40",
        "0,35;VALUE;0.35",
        "1.234,5;VALUE;1234.5",
        "1,234.5;VALUE;1234.5",
        "220 H;VALUE;220",
        "-5;VALUE;-5",
        "1e-3;VALUE;1e-3",
        "1,234,567;VALUE;1234567",
        "0.30;VALUE;0.30",
        "< 4,5;BELOW;4.5"
      })
  void parse_writtenForm_keepsEveryDigit(String text, NumberText.Kind kind, String literal) {
    NumberText number = NumberText.parse(text, DecimalMark.UNTOLD).orElseThrow();
    assertThat(number.kind()).isEqualTo(kind);
    assertThat(number.literal()).isEqualTo(literal);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "positive", "5-10", "1,500", "1.2.3", "12/3", "see note", "1 : x", "--5", "."})
  void parse_textThatMayMeanTwoThings_isNoValue(String text) {
    assertThat(NumberText.parse(text, DecimalMark.UNTOLD)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {"COMMA;1,500;1.500", "POINT;1,500;1500", "COMMA;1.500;1500", "COMMA;2.345,6;2345.6"})
  void parse_commaThatIsTold_isReadSo(DecimalMark mark, String text, String literal) {
    assertThat(NumberText.parse(text, mark).orElseThrow().literal()).isEqualTo(literal);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "220 mg/L;mg/L",
        "5/µL;/µL",
        "3.9mg/l;mg/l",
        "41 %;%",
        "15 10*9/L;10*9/L",
        "6.2 10^9/L;10^9/L"
      })
  void parse_unitBehindTheNumber_isTheRest(String text, String rest) {
    NumberText number = NumberText.parse(text, DecimalMark.UNTOLD).orElseThrow();
    assertThat(number.rest()).isEqualTo(rest);
  }
}
