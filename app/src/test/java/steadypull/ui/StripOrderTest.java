package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;

class StripOrderTest {
  private static final long SECOND = 1_000_000_000L;
  private static final StripState COOLANT = strip(Channels.ENGINE_COOLANT_TEMP, StripLevel.HOLDS);
  private static final StripState AIR = strip(Channels.CHARGE_AIR_TEMP_OUT, StripLevel.HOLDS);
  private static final StripState OIL = strip(Channels.ENGINE_OIL_TEMP, StripLevel.HOLDS);

  private final StripOrder order = new StripOrder();

  private static StripState strip(Channel channel, StripLevel level) {
    return Strips.of(channel, 105).from(80).now(81).to(82).level(level).build();
  }

  private List<StripState> at(double seconds, StripState... wanted) {
    return order.arrange(List.of(wanted), Optional.empty(), (long) (seconds * SECOND));
  }

  @BeforeEach
  void coolantFirst() {
    at(0, COOLANT, AIR, OIL);
  }

  @Test
  void newOrderShowsOnlyAfterItHasHeldFiveSeconds() {
    assertThat(at(10, AIR, COOLANT, OIL)).containsExactly(COOLANT, AIR, OIL);
    assertThat(at(14.9, AIR, COOLANT, OIL)).containsExactly(COOLANT, AIR, OIL);
    assertThat(at(15, AIR, COOLANT, OIL)).containsExactly(AIR, COOLANT, OIL);
  }

  @Test
  void orderThatGoesToAndFroNeverShows() {
    for (int second = 1; second < 60; second += 2) {
      assertThat(at(second, AIR, COOLANT, OIL)).containsExactly(COOLANT, AIR, OIL);
      assertThat(at(second + 1, COOLANT, AIR, OIL)).containsExactly(COOLANT, AIR, OIL);
    }
  }

  @Test
  void urgentStripIsOnTopAtOnce() {
    StripState urgent = strip(Channels.ENGINE_OIL_TEMP, StripLevel.ACT_NOW);
    assertThat(at(1, urgent, COOLANT, AIR)).containsExactly(urgent, COOLANT, AIR);
  }

  // The enlarged strip must be the one that is meant, not the one that happened to be on top.
  @Test
  void firstStripToLeaveHoldsIsOnTopAtOnce() {
    StripState advised = strip(Channels.CHARGE_AIR_TEMP_OUT, StripLevel.ADVISE);
    assertThat(at(1, advised, COOLANT, OIL)).containsExactly(advised, COOLANT, OIL);
  }

  // The large strip and the advice line must speak of the same thing.
  @Test
  void amongEqualsTheStripThatTheAdviceIsAboutIsOnTop() {
    StripState coolant = strip(Channels.ENGINE_COOLANT_TEMP, StripLevel.MAY_REACH);
    StripState air = strip(Channels.CHARGE_AIR_TEMP_OUT, StripLevel.MAY_REACH);
    StripState oil = strip(Channels.ENGINE_OIL_TEMP, StripLevel.ADVISE);
    Optional<Channel> about = Optional.of(Channels.CHARGE_AIR_TEMP_OUT);
    assertThat(new StripOrder().arrange(List.of(coolant, air), about, 0))
        .containsExactly(air, coolant);
    assertThat(new StripOrder().arrange(List.of(coolant, air, oil), about, 0))
        .containsExactly(oil, air, coolant);
    assertThat(new StripOrder().arrange(List.of(COOLANT, AIR), about, 0))
        .containsExactly(COOLANT, AIR);
  }

  @Test
  void newChannelShowsAtOnce() {
    assertThat(at(1, AIR, COOLANT)).containsExactly(AIR, COOLANT);
  }

  @Test
  void silentStripDoesNotEnlargeTheTopOne() {
    StripState silent = Strips.of(Channels.ENGINE_OIL_TEMP, 130).now(99).stale(38).build();
    assertThat(StripOrder.leads(List.of(COOLANT, silent))).isFalse();
    assertThat(
            StripOrder.leads(
                List.of(COOLANT, strip(Channels.ENGINE_OIL_TEMP, StripLevel.MAY_REACH))))
        .isTrue();
  }

  @Test
  void stripThatHasLeftHoldsStandsOverCalmAndSilentOnes() {
    StripState silent = Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).now(99).stale(38).build();
    StripState mayReach = strip(Channels.ENGINE_OIL_TEMP, StripLevel.MAY_REACH);
    assertThat(at(1, silent, COOLANT, mayReach)).containsExactly(mayReach, COOLANT, silent);
  }
}
