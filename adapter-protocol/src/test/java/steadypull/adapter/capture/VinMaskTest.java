package steadypull.adapter.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Nothing of a vehicle's number is written down. The number here is invented; shapes are those of
 * ISO 15765-2 (frames), ISO 9141-2 and SAE J1979 (five messages on older buses), ISO 14229 (F190).
 */
class VinMaskTest {
  private static final String VIN = "1ZZTP9AG1R0000042";
  private static final String MASKED = "STEADYPULLMASKED0";

  private final List<CaptureEvent> events = new ArrayList<>();
  private final CaptureRecorder recorder = new CaptureRecorder(events::add, false);

  /** How an answer with the number may look. */
  enum Shape {
    ELEVEN_BIT("0902", false) {
      @Override
      String answer(String vin) {
        return frames("7E8", "490201" + hex(vin));
      }
    },
    TWENTY_NINE_BIT("0902", false) {
      @Override
      String answer(String vin) {
        return frames("18DAF110", "490201" + hex(vin));
      }
    },
    WITH_BLANKS("0902", false) {
      @Override
      String answer(String vin) {
        return frames("7E8", "490201" + hex(vin)).replaceAll("([0-9A-F]{2})(?=\\S)", "$1 ");
      }
    },
    TWO_UNITS_INTERLEAVED("0902", false) {
      @Override
      String answer(String vin) {
        String[] one = frames("7E8", "490201" + hex(vin)).split("(?<=\r)", -1);
        String[] other = frames("7E9", "490201" + hex(vin)).split("(?<=\r)", -1);
        return one[0] + other[0] + one[1] + other[1] + other[2] + one[2];
      }
    },
    WITHOUT_HEADERS("0902", false) {
      @Override
      String answer(String vin) {
        String payload = "490201" + hex(vin);
        return "014\r0:"
            + payload.substring(0, 12)
            + "\r1:"
            + payload.substring(12, 26)
            + "\r2:"
            + payload.substring(26)
            + "\r";
      }
    },
    FIVE_MESSAGES("0902", false) {
      @Override
      String answer(String vin) {
        return fiveMessages("486B10", vin);
      }
    },
    FIVE_MESSAGES_WITH_LENGTH("0902", false) {
      @Override
      String answer(String vin) {
        return fiveMessages("87F110", vin);
      }
    },
    IDENTIFIER("22F190", false) {
      @Override
      String answer(String vin) {
        return frames("7E8", "62F190" + hex(vin));
      }
    },
    IDENTIFIER_OF_THE_NEWER_STANDARD("22F802", false) {
      @Override
      String answer(String vin) {
        return frames("18DAF110", "62F802" + hex(vin));
      }
    },
    AMONG_OTHER_IDENTIFIERS("22F18CF190", false) {
      @Override
      String answer(String vin) {
        return frames("7E8", "62F18C3030F190" + hex(vin));
      }
    },
    SEARCH_IN_FRONT("0902", false) {
      @Override
      String answer(String vin) {
        return "SEARCHING..." + frames("7E8", "490201" + hex(vin));
      }
    },
    SERIAL_LINE("t7DF80209020000000000", true) {
      @Override
      String answer(String vin) {
        return frames("7E8", "490201" + hex(vin)).replaceAll("7E8", "t7E88");
      }
    },
    PLAIN_TEXT("ATI", false) {
      @Override
      String answer(String vin) {
        return "VIN " + vin + "\r";
      }
    };

    private final String request;
    private final boolean hasNoPrompt;

    Shape(String request, boolean hasNoPrompt) {
      this.request = request;
      this.hasNoPrompt = hasNoPrompt;
    }

    abstract String answer(String vin);
  }

  @ParameterizedTest
  @EnumSource(Shape.class)
  void numberIsMaskedAtEqualLength(Shape shape) {
    String answer = shape.answer(VIN);
    ask(shape, answer, Integer.MAX_VALUE);

    assertNothingIsLeft(VIN, "");
    assertThat(heard()).hasSize((answer + prompt(shape)).length());
  }

  @Test
  void whatIsMaskedIsStillAnAnswer() {
    ask(Shape.ELEVEN_BIT, Shape.ELEVEN_BIT.answer(VIN), Integer.MAX_VALUE);
    assertThat(heard()).isEqualTo(Shape.ELEVEN_BIT.answer(MASKED) + "\r>");
  }

  // On the older buses a wrong check byte would lose the message.
  @Test
  void checkBytesFitWhatIsMasked() {
    ask(Shape.FIVE_MESSAGES, Shape.FIVE_MESSAGES.answer(VIN), Integer.MAX_VALUE);
    assertThat(heard()).isEqualTo(Shape.FIVE_MESSAGES.answer(MASKED) + "\r>");
  }

  @Test
  void otherAnswersAreLeftAsTheyAre() {
    String map = "7E8064100BE3FB813AA\r7E906410098188011AA\r";
    String exhaust = "7E8100B417807170C12\r7E8215C0FA00000AAAA\r";
    ask(Shape.ELEVEN_BIT, Shape.ELEVEN_BIT.answer(VIN), Integer.MAX_VALUE);
    events.clear();
    send("0100");
    hear(map + "\r>", 5);
    send("0178");
    hear(exhaust + "\r>", 7);

    assertThat(heard()).isEqualTo(map + "\r>" + exhaust + "\r>");
  }

  @Test
  void refusalOfTheNumberIsLeftAsItIs() {
    ask(Shape.IDENTIFIER, "7E8037F2231AAAAAAAA\r", Integer.MAX_VALUE);

    assertThat(heard()).startsWith("7E8037F2231");
  }

  // It came after the adapter's own patience, in the reply to the next question.
  @Test
  void numberThatComesLateIsMasked() {
    send("0902");
    hear("NO DATA\r\r>", 99);
    send("010C");
    hear(Shape.ELEVEN_BIT.answer(VIN) + "7E804410C1F40AAAAAA\r\r>", 99);

    assertNothingIsLeft(VIN, "");
    assertThat(heard()).contains("7E804410C1F40AAAAAA");
  }

  @Test
  void restOfANumberWhoseBeginningWasLostIsMasked() {
    send("0902");
    String answer = Shape.ELEVEN_BIT.answer(VIN);
    hear(answer.substring(answer.indexOf('\r') + 1) + "\r>", 99);

    assertNothingIsLeft(VIN, "");
  }

  @Test
  void numberThatWasSeenIsKnownAgainAnywhere() {
    ask(Shape.ELEVEN_BIT, Shape.ELEVEN_BIT.answer(VIN), Integer.MAX_VALUE);
    for (int later = 0; later < 10; later++) {
      send("010C");
      hear("NO DATA\r\r>", 99);
    }
    hear("7E8225A5A5450394147\rHELLO ZTP9AG1R0\r>", 99);

    assertNothingIsLeft(VIN, "");
  }

  @Test
  void lineThatIsCutOffIsBlotted() {
    send("0902");
    String answer = Shape.ELEVEN_BIT.answer(VIN);
    hear(answer.substring(0, answer.length() - 9), 99);
    recorder.lost(9_000_000, "gone");

    assertNothingIsLeft(VIN, "");
  }

  @Test
  void numberIsKeptOnRequest() {
    CaptureRecorder keeping = new CaptureRecorder(events::add, true);
    keeping.sent(0, "0902\r".getBytes(StandardCharsets.US_ASCII));
    keeping.heard(1_000_000, Shape.ELEVEN_BIT.answer(VIN).getBytes(StandardCharsets.US_ASCII));

    assertThat(heard()).isEqualTo(Shape.ELEVEN_BIT.answer(VIN));
  }

  @ParameterizedTest
  @EnumSource(Shape.class)
  void noFiveCharactersOfAnyNumberAreLeftHoweverItIsCut(Shape shape) {
    long seed = 3_779;
    Random random = new Random(seed);
    for (int round = 0; round < 400; round++) {
      VinMaskTest other = new VinMaskTest();
      String vin = randomVin(random);
      other.ask(shape, shape.answer(vin), 1 + random.nextInt(30));
      other.assertNothingIsLeft(vin, "seed %d, round %d".formatted(seed, round));
    }
  }

  // A character is lost, doubled or another one, once in each answer.
  @ParameterizedTest
  @EnumSource(value = Shape.class, mode = EnumSource.Mode.EXCLUDE, names = "PLAIN_TEXT")
  void noFiveCharactersOfAnyNumberAreLeftOfADamagedAnswer(Shape shape) {
    long seed = 15_765;
    Random random = new Random(seed);
    for (int round = 0; round < 400; round++) {
      VinMaskTest other = new VinMaskTest();
      String vin = randomVin(random);
      String damaged = damaged(shape.answer(vin), random);
      other.ask(shape, damaged, 1 + random.nextInt(30));
      other.assertNothingIsLeft(
          vin, "seed %d, round %d, \"%s\"".formatted(seed, round, damaged.replace('\r', '|')));
    }
  }

  private static String damaged(String answer, Random random) {
    StringBuilder text = new StringBuilder(answer);
    int at = random.nextInt(answer.length());
    switch (random.nextInt(3)) {
      case 0 -> text.deleteCharAt(at);
      case 1 -> text.insert(at, text.charAt(at));
      default -> text.setCharAt(at, "0123456789ABCDEF\0?".charAt(random.nextInt(18)));
    }
    return text.toString();
  }

  /** ISO 3779: thirteen letters and digits without I, O and Q, then four digits. */
  private static String randomVin(Random random) {
    String letters = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";
    return random
            .ints(13, 0, letters.length())
            .mapToObj(i -> String.valueOf(letters.charAt(i)))
            .collect(Collectors.joining())
        + "%04d".formatted(random.nextInt(10_000));
  }

  private void ask(Shape shape, String answer, int piece) {
    send(shape.request);
    hear(answer + prompt(shape), piece);
  }

  private static String prompt(Shape shape) {
    return shape.hasNoPrompt ? "" : "\r>";
  }

  private void send(String request) {
    recorder.sent(events.size() * 1000L, (request + "\r").getBytes(StandardCharsets.US_ASCII));
  }

  private void hear(String text, int piece) {
    int size = Math.min(piece, text.length());
    for (int at = 0; at < text.length(); at += size) {
      String part = text.substring(at, Math.min(text.length(), at + size));
      recorder.heard(1_000_000L + at * 1000L, part.getBytes(StandardCharsets.ISO_8859_1));
    }
  }

  private String heard() {
    return events.stream()
        .filter(event -> event.kind() == CaptureEvent.Kind.HEARD)
        .map(CaptureEvent::text)
        .collect(Collectors.joining());
  }

  /** As text, as hex digits, and as hex digits with the frames' own bytes between the lines. */
  private void assertNothingIsLeft(String vin, String description) {
    recorder.end();
    String bare = heard().replaceAll("[ \0]", "").toUpperCase(Locale.ROOT);
    for (int at = 0; at + 5 <= vin.length(); at++) {
      String five = vin.substring(at, at + 5);
      assertThat(bare).as(description).doesNotContain(hex(five));
      if (!five.matches("[0-9A-F]{5}")) { // such digits stand in any frame by chance
        assertThat(bare).as(description).doesNotContain(five);
      }
    }
  }

  private static String hex(String text) {
    return HexFormat.of().withUpperCase().formatHex(text.getBytes(StandardCharsets.US_ASCII));
  }

  private static String frames(String header, String payload) {
    StringBuilder lines = new StringBuilder(header);
    int bytes = payload.length() / 2;
    lines.append("1%03X".formatted(bytes)).append(payload, 0, 12).append('\r');
    int sequence = 1;
    for (int at = 12; at < payload.length(); at += 14) {
      String part = payload.substring(at, Math.min(payload.length(), at + 14));
      lines.append(header).append("2%X".formatted(sequence)).append(part);
      lines.append("55".repeat((14 - part.length()) / 2)).append('\r');
      sequence++;
    }
    return lines.toString();
  }

  private static String fiveMessages(String header, String vin) {
    String padded = "000000" + hex(vin);
    StringBuilder lines = new StringBuilder();
    for (int number = 1; number <= 5; number++) {
      String message =
          header + "4902%02X".formatted(number) + padded.substring(number * 8 - 8, number * 8);
      int sum = 0;
      for (byte one : HexFormat.of().parseHex(message)) {
        sum += one;
      }
      lines.append(message).append("%02X".formatted(sum & 0xFF)).append('\r');
    }
    return lines.toString();
  }
}
