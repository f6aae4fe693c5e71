package steadypull.adapter.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Frame kinds, length and sequence rules, what an unexpected frame does: ISO 15765-2, Road
 * vehicles, Diagnostic communication over Controller Area Network, 2016, as given in the transport
 * sheet, section 2; what ends a reception that is under way is from memory of that standard. The
 * worked example was computed by hand from these rules.
 */
class SegmentReceptionTest {
  private static final Duration PATIENCE = Duration.ofMillis(150);
  private static final long MILLISECOND = 1_000_000L;

  private final SegmentReception reception = new SegmentReception(PATIENCE);
  private long now = 5 * MILLISECOND;

  @Test
  void singleFrameEndsAtItsLengthWhateverTheFillerIs() {
    for (String filler : List.of("00", "55", "AA", "CC", "FF")) {
      assertThat(take(0x7E8, "04 41 0C 1F 40" + filler.repeat(3)))
          .as(filler)
          .isEqualTo(whole("41 0C 1F 40"));
    }
    assertThat(take(0x7E8, "04 41 0C 1F 40")).isEqualTo(whole("41 0C 1F 40"));
  }

  @Test
  void firstFrameIsAnsweredByFlowControlForAllAtOnce() {
    SegmentReception.Outcome outcome = take(0x7E8, "10 0B 41 78 07 17 0C 12");

    assertThat(outcome).isEqualTo(new SegmentReception.Outcome.Answer(FlowControl.ALL_AT_ONCE));
    assertThat(FlowControl.ALL_AT_ONCE.toBytes())
        .isEqualTo(Payload.ofHex("30 00 00 00 00 00 00 00"));
    assertThat(take(0x7E8, "21 5C 0F A0 00 00 AA AA"))
        .isEqualTo(whole("41 78 07 17 0C 12 5C 0F A0 00 00"));
  }

  @Test
  void everyLengthSurvivesTheWay() {
    Random random = new Random(3);
    for (int length = 1; length <= 4095; length += length < 300 ? 1 : 37) {
      Payload message = random(random, length);
      assertThat(through(frames(message))).as("length " + length).containsExactly(message);
    }
  }

  @Test
  void interleavedSendersAreKeptApartAlsoIfTheirNumbersAreEqual() {
    Random random = new Random(4);
    Payload engine = random(random, 30);
    Payload gearbox = random(random, 30);
    List<Payload> ofEngine = frames(engine);
    List<Payload> ofGearbox = frames(gearbox);
    List<Payload> whole = new ArrayList<>();
    for (int i = 0; i < ofEngine.size(); i++) {
      take(new CanFrame(0x7E8, false, ofEngine.get(i)), whole);
      take(new CanFrame(0x7E8, true, ofGearbox.get(i)), whole);
    }

    assertThat(whole).containsExactly(engine, gearbox);
  }

  @Test
  void missingRepeatedOrSwappedPartDropsTheMessage() {
    long seed = 12;
    Random random = new Random(seed);
    for (int round = 0; round < 3000; round++) {
      List<Payload> frames = frames(random(random, 21 + random.nextInt(180)));
      int at = 1 + random.nextInt(frames.size() - 2);
      switch (random.nextInt(3)) {
        case 0 -> frames.remove(at);
        case 1 -> frames.add(at, frames.get(at));
        case 2 -> frames.add(at + 1, frames.remove(at));
        default -> throw new AssertionError();
      }
      assertThat(through(frames)).as("seed %d, round %d", seed, round).isEmpty();
    }
  }

  // Sixteen parts lost in a row cannot be told by the sequence number, but by the length.
  @Test
  void randomLossNeverGivesAMessageThatWasNotSentUnlessSixteenInARowAreLost() {
    long seed = 77;
    Random random = new Random(seed);
    for (int round = 0; round < 3000; round++) {
      Payload message = random(random, 8 + random.nextInt(100));
      List<Payload> frames = frames(message);
      frames.removeIf(frame -> random.nextInt(10) == 0);
      for (Payload whole : through(frames)) {
        assertThat(whole).as("seed %d, round %d", seed, round).isEqualTo(message);
      }
    }
  }

  @Test
  void randomCorruptionNeverThrowsAndNeverExceedsTheLengthAnnounced() {
    long seed = 78;
    Random random = new Random(seed);
    for (int round = 0; round < 20_000; round++) {
      SegmentReceiver receiver = new SegmentReceiver(PATIENCE);
      int announced = 7;
      for (Payload frame : frames(random(random, 1 + random.nextInt(60)))) {
        byte[] bytes = frame.toBytes();
        bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        Payload damaged = Payload.of(bytes).slice(0, random.nextInt(9));
        if (damaged.size() == 8 && damaged.at(0) >> 4 == 1) {
          announced = Math.max(announced, (damaged.at(0) & 0x0F) << 8 | damaged.at(1));
        }
        if (receiver.accept(damaged, now) instanceof SegmentReceiver.Outcome.Whole(Payload got)) {
          assertThat(got.size()).as("seed %d, round %d", seed, round).isBetween(1, announced);
        }
      }
    }
  }

  // N_Cr: the next part has to come within the patience, counted from the part before.
  @Test
  void partThatComesTooLateFindsNoMessage() {
    List<Payload> frames = frames(random(new Random(5), 25));
    take(0x7E8, frames.get(0));
    now += PATIENCE.toNanos();
    take(0x7E8, frames.get(1));
    assertThat(reception.deadlineNanoTime(now)).hasValue(now + PATIENCE.toNanos());
    now += PATIENCE.toNanos() + 1;

    assertThat(reception.deadlineNanoTime(now)).isEmpty();
    assertThat(take(0x7E8, frames.get(2))).isEqualTo(nothing());
    assertThat(take(0x7E8, frames.get(3))).isEqualTo(nothing());
  }

  @Test
  void newSingleOrFirstFrameEndsWhatWasUnderWay() {
    List<Payload> old = frames(random(new Random(6), 20));
    take(0x7E8, old.get(0));
    assertThat(take(0x7E8, "03 7F 01 12 00 00 00 00")).isEqualTo(whole("7F 01 12"));
    assertThat(take(0x7E8, old.get(1))).isEqualTo(nothing());

    Payload next = random(new Random(7), 13);
    take(0x7E8, old.get(0));
    assertThat(through(frames(next))).containsExactly(next);
  }

  @Test
  void lengthBeyondTwelveBitsIsRefusedByFlowControl() {
    assertThat(take(0x7E8, "10 00 00 00 10 00 41 00"))
        .isEqualTo(new SegmentReception.Outcome.Answer(FlowControl.TOO_LONG));
    assertThat(FlowControl.TOO_LONG.toBytes()).isEqualTo(Payload.ofHex("32 00 00 00 00 00 00 00"));
    assertThat(take(0x7E8, "21 00 00 00 00 00 00 00")).isEqualTo(nothing());
  }

  @Test
  void impossibleFramesMeanNothing() {
    for (String bytes :
        List.of(
            "", // no bytes
            "00 41 0C 1F 40 AA AA AA", // length 0
            "08 41 0C 1F 40 AA AA AA", // more than seven in a single frame
            "04 41 0C 1F", // shorter than its length
            "10 07 41 0C 1F 40 AA AA", // first frame of a message that fits a single one
            "10 0B 41 78 07 17 0C", // first frame cut short
            "21 5C 0F A0 00 00 AA AA", // consecutive without first
            "30 00 00 00 00 00 00 00", // flow control to a receiver
            "40 41 0C 1F 40 AA AA AA")) { // reserved kind
      assertThat(take(0x7E8, bytes)).as(bytes).isEqualTo(nothing());
    }
  }

  @Test
  void consecutiveFrameTooShortForItsShareDropsTheMessage() {
    take(0x7E8, "10 0B 41 78 07 17 0C 12");
    assertThat(take(0x7E8, "21 5C 0F A0 00")).isEqualTo(nothing());
    assertThat(take(0x7E8, "21 5C 0F A0 00 00 AA AA")).isEqualTo(nothing());
  }

  @Test
  void newRequestForgetsWhatWasUnderWay() {
    take(0x7E8, "10 0B 41 78 07 17 0C 12");
    reception.clear();

    assertThat(take(0x7E8, "21 5C 0F A0 00 00 AA AA")).isEqualTo(nothing());
  }

  private SegmentReception.Outcome take(int sender, String hex) {
    return take(sender, Payload.ofHex(hex));
  }

  private SegmentReception.Outcome take(int sender, Payload bytes) {
    return reception.accept(new CanFrame(sender, false, bytes), now);
  }

  private void take(CanFrame frame, List<Payload> whole) {
    if (reception.accept(frame, now) instanceof SegmentReception.Outcome.Whole(Payload message)) {
      whole.add(message);
    }
  }

  private List<Payload> through(List<Payload> frames) {
    List<Payload> whole = new ArrayList<>();
    frames.forEach(frame -> take(new CanFrame(0x7E8, false, frame), whole));
    reception.clear();
    return whole;
  }

  private static SegmentReception.Outcome whole(String hex) {
    return new SegmentReception.Outcome.Whole(Payload.ofHex(hex));
  }

  private static SegmentReception.Outcome nothing() {
    return new SegmentReception.Outcome.Nothing();
  }

  private static Payload random(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return Payload.of(bytes);
  }

  /** Cuts a message into frames, by the rules of the standard and not by the program's sender. */
  private static List<Payload> frames(Payload message) {
    String hex = message.toString();
    List<Payload> frames = new ArrayList<>();
    if (message.size() <= 7) {
      frames.add(filled("0" + message.size() + hex));
      return frames;
    }
    frames.add(filled("1%03X%s".formatted(message.size(), hex.substring(0, 12))));
    for (int at = 12, number = 1; at < hex.length(); at += 14, number++) {
      String part = hex.substring(at, Math.min(hex.length(), at + 14));
      frames.add(filled("2%X%s".formatted(number % 16, part)));
    }
    return frames;
  }

  private static Payload filled(String hex) {
    return Payload.ofHex(hex + "CC".repeat(8 - hex.length() / 2));
  }
}
