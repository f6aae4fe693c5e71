package steadypull.adapter.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Sending: ISO 15765-2, Road vehicles, Diagnostic communication over Controller Area Network, 2016,
 * frame kinds, flow control and separation time as given in the transport sheet, section 2
 * (reserved separation times mean 127 ms: from memory of that standard).
 */
class SegmentSenderTest {
  private static final Duration PATIENCE = Duration.ofMillis(75);
  private static final long MILLISECOND = 1_000_000L;

  private long now = 9 * MILLISECOND;

  @Test
  void shortMessageIsOneFrameFilledUp() {
    SegmentSender sender = sender("01 0C");

    assertThat(sender.next(now)).isEqualTo(send("02 01 0C 00 00 00 00 00"));
    assertThat(sender.next(now)).isEqualTo(new SegmentSender.Step.Done());
  }

  @Test
  void longMessageWaitsForFlowControlThenGoesInBlocks() {
    SegmentSender sender = sender("01 02 03 04 05 06 07 08 09 0A 0B 0C 0D 0E 0F 10 11 12 13 14 15");
    assertThat(sender.next(now)).isEqualTo(send("10 15 01 02 03 04 05 06"));
    assertThat(sender.next(now)).isEqualTo(wait(PATIENCE));

    sender.accept(Payload.ofHex("30 02 00"), now);
    assertThat(sender.next(now)).isEqualTo(send("21 07 08 09 0A 0B 0C 0D"));
    assertThat(sender.next(now)).isEqualTo(send("22 0E 0F 10 11 12 13 14"));
    assertThat(sender.next(now)).isEqualTo(wait(PATIENCE));

    sender.accept(Payload.ofHex("30 02 00 AA AA AA AA AA"), now);
    assertThat(sender.next(now)).isEqualTo(send("23 15 00 00 00 00 00 00"));
    assertThat(sender.next(now)).isEqualTo(new SegmentSender.Step.Done());
  }

  @Test
  void framesKeepTheSeparationThatTheReceiverAsksFor() {
    SegmentSender sender = new SegmentSender(random(new Random(1), 30), PATIENCE);
    sender.next(now);
    sender.accept(Payload.ofHex("30 00 0A"), now);
    sender.next(now);

    assertThat(sender.next(now)).isEqualTo(wait(Duration.ofMillis(10)));
    now += 10 * MILLISECOND - 1;
    assertThat(sender.next(now)).isInstanceOf(SegmentSender.Step.Wait.class);
    now += 1;
    assertThat(sender.next(now)).isInstanceOf(SegmentSender.Step.Send.class);
  }

  @Test
  void separationTimesOfEveryCode() {
    for (int code = 0; code <= 0xFF; code++) {
      Duration expected =
          code <= 0x7F
              ? Duration.ofMillis(code)
              : code >= 0xF1 && code <= 0xF9
                  ? Duration.ofNanos((code & 0x0F) * 100_000L)
                  : Duration.ofMillis(127);
      assertThat(new FlowControl(FlowControl.Status.CONTINUE, 0, code).separation())
          .as("%02X", code)
          .isEqualTo(expected);
    }
  }

  // N_Bs
  @Test
  void missingFlowControlFails() {
    SegmentSender sender = new SegmentSender(random(new Random(2), 8), PATIENCE);
    sender.next(now);
    now += PATIENCE.toNanos() - 1;
    assertThat(sender.next(now)).isInstanceOf(SegmentSender.Step.Wait.class);
    now += 1;

    sender.accept(Payload.ofHex("30 00 00"), now);
    assertThat(sender.next(now)).isEqualTo(failed(SegmentSender.Failure.NO_FLOW_CONTROL));
  }

  @Test
  void waitFramesRenewThePatienceButNotForEver() {
    SegmentSender sender = new SegmentSender(random(new Random(2), 8), PATIENCE);
    sender.next(now);
    for (int waits = 0; waits < 16; waits++) {
      now += PATIENCE.toNanos() - 1;
      sender.accept(Payload.ofHex("31 00 00"), now);
      assertThat(sender.next(now)).as("wait " + waits).isEqualTo(wait(PATIENCE));
    }
    sender.accept(Payload.ofHex("31 00 00"), now);

    assertThat(sender.next(now)).isEqualTo(failed(SegmentSender.Failure.TOO_MANY_WAITS));
  }

  @Test
  void receiverMayRefuseAndReservedStatusEndsTheSending() {
    assertThat(afterFirst("32 00 00")).isEqualTo(failed(SegmentSender.Failure.OVERFLOW));
    assertThat(afterFirst("33 00 00"))
        .isEqualTo(failed(SegmentSender.Failure.INVALID_FLOW_CONTROL));
    assertThat(afterFirst("30 00")).isEqualTo(failed(SegmentSender.Failure.INVALID_FLOW_CONTROL));
  }

  @Test
  void otherFramesAndUnaskedFlowControlChangeNothing() {
    assertThat(afterFirst("03 7F 01 12")).isEqualTo(wait(PATIENCE));
    SegmentSender sender = new SegmentSender(random(new Random(2), 30), PATIENCE);
    sender.next(now);
    sender.accept(Payload.ofHex("30 00 00"), now);
    sender.next(now);
    sender.accept(Payload.ofHex("32 00 00"), now);

    assertThat(sender.next(now)).isInstanceOf(SegmentSender.Step.Send.class);
  }

  @Test
  void everyMessageArrivesWholeWhateverTheReceiverAsksFor() {
    long seed = 11;
    Random random = new Random(seed);
    for (int round = 0; round < 500; round++) {
      Payload message = random(random, 1 + random.nextInt(round % 50 == 0 ? 4095 : 300));
      assertThat(delivered(message, random.nextInt(256), random.nextInt(256)))
          .as("seed %d, round %d", seed, round)
          .containsExactly(message);
    }
  }

  private List<Payload> delivered(Payload message, int blockSize, int separation) {
    SegmentReceiver receiver = new SegmentReceiver(Duration.ofSeconds(1));
    SegmentSender sender = new SegmentSender(message, PATIENCE);
    Payload flowControl =
        new FlowControl(FlowControl.Status.CONTINUE, blockSize, separation).toBytes();
    List<Payload> whole = new ArrayList<>();
    int inBlock = 0;
    while (true) {
      switch (sender.next(now)) {
        case SegmentSender.Step.Send(Payload frame) -> {
          assertThat(frame.size()).isEqualTo(8);
          inBlock++;
          switch (receiver.accept(frame, now)) {
            case SegmentReceiver.Outcome.Whole(Payload got) -> whole.add(got);
            case SegmentReceiver.Outcome.Answer answer -> {
              sender.accept(flowControl, now);
              inBlock = 0;
            }
            case SegmentReceiver.Outcome.Taken taken -> {
              if (inBlock == blockSize) {
                sender.accept(flowControl, now);
                inBlock = 0;
              }
            }
            case SegmentReceiver.Outcome.Broken broken -> throw new AssertionError("broken");
            case SegmentReceiver.Outcome.Ignored ignored -> throw new AssertionError("ignored");
          }
        }
        case SegmentSender.Step.Wait(long until) -> now = until;
        case SegmentSender.Step.Done done -> {
          return whole;
        }
        case SegmentSender.Step.Failed(SegmentSender.Failure failure) ->
            throw new AssertionError(failure);
      }
    }
  }

  @Test
  void lengthsThatCannotBeSentAreRefused() {
    assertThatThrownBy(() -> new SegmentSender(Payload.ofHex(""), PATIENCE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SegmentSender(random(new Random(1), 4096), PATIENCE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("4096");
  }

  private SegmentSender.Step afterFirst(String answer) {
    SegmentSender sender = new SegmentSender(random(new Random(2), 8), PATIENCE);
    sender.next(now);
    sender.accept(Payload.ofHex(answer), now);
    return sender.next(now);
  }

  private static SegmentSender sender(String hex) {
    return new SegmentSender(Payload.ofHex(hex), PATIENCE);
  }

  private static SegmentSender.Step send(String hex) {
    return new SegmentSender.Step.Send(Payload.ofHex(hex));
  }

  private SegmentSender.Step wait(Duration span) {
    return new SegmentSender.Step.Wait(now + span.toNanos());
  }

  private static SegmentSender.Step failed(SegmentSender.Failure failure) {
    return new SegmentSender.Step.Failed(failure);
  }

  private static Payload random(Random random, int length) {
    byte[] bytes = new byte[length];
    random.nextBytes(bytes);
    return Payload.of(bytes);
  }
}
