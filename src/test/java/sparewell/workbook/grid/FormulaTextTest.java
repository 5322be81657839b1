package sparewell.workbook.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected texts are what copying down and across does by the rules of ECMA-376, 18.17.2.3. */
class FormulaTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          E2*2                            | 3  | 0 | E5*2
          $E2+E$2+$E$2                    | 3  | 1 | $E5+F$2+$E$2
          SUM(C$2:C10)/ABS(Z9)            | 1  | 1 | SUM(D$2:D11)/ABS(AA10)
          LOG10(E2)+1E5+2.5               | 1  | 0 | LOG10(E3)+1E5+2.5
          "E2 says ""E2""\"&E2             | 1  | 0 | "E2 says ""E2""\"&E3
          'Own E2''s'!E2+Trips!$B2        | 1  | 0 | 'Own E2''s'!E3+Trips!$B3
          2*Rows1[[#This Row],[E2]]+E2    | 1  | 0 | 2*Rows1[[#This Row],[E2]]+E3
          [1]Prices!B7                    | 2  | 0 | [1]Prices!B9
          Rate_E2*tax.E2*XFE2*E2          | 1  | 0 | Rate_E2*tax.E2*XFE2*E3
          VLOOKUP(B2,Styles!A:F,6,FALSE)  | 1  | 0 | VLOOKUP(B3,Styles!A:F,6,FALSE)
          IF(e2>0,{1,2},)                 | 1  | 0 | IF(e3>0,{1,2},)
          E5*2                            | -3 | 0 | E2*2
          SUM(Trips!B2:Trips!B9)          | 1  | 0 | SUM(Trips!B3:Trips!B10)
          SUM(Trips:Losses!B2)            | 1  | 0 | SUM(Trips:Losses!B3)
          """)
  void moves(String text, int rows, int columns, String moved) {
    assertEquals(Optional.of(moved), FormulaText.moved(text, rows, columns));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          E2*2            | -2      | 0
          E1048576        | 1       | 0
          XFD1            | 0       | 1
          SUM(5:7)        | 1       | 0
          SUM($5:7)       | 1       | 0
          SUM(A:C)        | 0       | 1
          SUM(Q1:Q4!B2)   | 1       | 0
          SUM(Q1:'Q4'!B2) | 1       | 0
          E2+#REF!        | 1       | 0
          SUM(E2#)        | 1       | 0
          "open           | 1       | 0
          Rows1[[Lost]    | 1       | 0
          """)
  void isNotSure(String text, int rows, int columns) {
    assertEquals(Optional.empty(), FormulaText.moved(text, rows, columns));
  }

  @Test
  void staysTheSameInPlace() {
    String text = "IF(A1=\"\",\"\",SUMIFS(Losses!$E:$E,Losses!$A:$A,A1))";
    assertEquals(Optional.of(text), FormulaText.moved(text, 0, 0));
  }
}
