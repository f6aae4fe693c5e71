package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GraphicsTroubleTest {
  // Package names as in Debian 12 and Fedora 40: from memory.
  @ParameterizedTest
  @CsvSource({
    "libgtk-3.so.0: cannot open shared object file, libgtk-3-0, gtk3",
    "libpangoft2-1.0.so.0: cannot open shared object file, libpangoft2-1.0-0, pango",
    "libXtst.so.6: cannot open shared object file, libxtst6, libXtst"
  })
  void missingLibraryIsNamedWithThePackageThatBringsIt(String text, String debian, String fedora) {
    Throwable thrown = new RuntimeException("startup", new UnsatisfiedLinkError(text));
    assertThat(GraphicsTrouble.explain(thrown))
        .contains("apt install " + debian, "dnf install " + fedora);
  }

  @Test
  void missingDisplaySaysWhatWorksWithoutOne() {
    assertThat(GraphicsTrouble.explain(new UnsupportedOperationException("Unable to open DISPLAY")))
        .contains("expected a display, found none", "steadypull --help");
  }

  @Test
  void unknownTroubleIsQuoted() {
    assertThat(GraphicsTrouble.explain(new IllegalStateException("no pipe")))
        .contains("found: no pipe");
  }

  @Test
  void onlyLinuxNeedsADisplayVariable() {
    assertThat(Displays.available("Linux", Map.of())).isFalse();
    assertThat(Displays.available("Linux", Map.of("DISPLAY", " "))).isFalse();
    assertThat(Displays.available("Linux", Map.of("DISPLAY", ":0"))).isTrue();
    assertThat(Displays.available("Windows 11", Map.of())).isTrue();
    assertThat(Displays.available("Mac OS X", Map.of())).isTrue();
  }
}
