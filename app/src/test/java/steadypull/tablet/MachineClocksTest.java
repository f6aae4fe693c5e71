package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MachineClocksTest {
  private static final Instant NOW = Instant.parse("2026-07-15T17:45:12Z");
  private static final InstantSource WALL = InstantSource.fixed(NOW);

  @TempDir private Path folder;

  private Optional<ClockReading> read(Duration took, Optional<Path> uptime) {
    Iterator<Long> monotonic = List.of(5L, 5 + took.toNanos()).iterator();
    return new MachineClocks(WALL, monotonic::next, uptime).read();
  }

  // Form of the file: proc(5), Linux man-pages: seconds up, then seconds idle.
  @Test
  void uptimeIsTheFirstOfTwoNumbers() throws Exception {
    Path uptime = Files.writeString(folder.resolve("uptime"), "681.34 787.54\n");

    assertThat(read(Duration.ZERO, Optional.of(uptime)))
        .contains(new ClockReading(NOW, 5, OptionalLong.of(681_340_000_000L)));
  }

  @Test
  void anUptimeThatCannotBeReadIsNotTold() throws Exception {
    ClockReading untold = new ClockReading(NOW, 5, OptionalLong.empty());
    Path odd = Files.writeString(folder.resolve("uptime"), "long\n");

    assertThat(read(Duration.ZERO, Optional.of(odd))).contains(untold);
    assertThat(read(Duration.ZERO, Optional.of(folder.resolve("absent")))).contains(untold);
    assertThat(read(Duration.ZERO, Optional.empty())).contains(untold);
  }

  // A machine that stalls between two clocks would tell of a jump that was none.
  @Test
  void clocksThatCouldNotBeReadTogetherAreLeftOut() {
    assertThat(read(Duration.ofMillis(200), Optional.empty())).isPresent();
    assertThat(read(Duration.ofMillis(201), Optional.empty())).isEmpty();
  }
}
