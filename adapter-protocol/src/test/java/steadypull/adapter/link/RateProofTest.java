package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RateProofTest {
  @Test
  void promptBehindPlainTextAndWholeLinesOfSerialCanAreProofs() {
    for (String text :
        List.of(
            "OK\r\r>",
            "7E804410C1F40AAAAAA\r\r>",
            "V1013\r",
            "\rV1013\r",
            "\u0007V1013\r",
            "z\rt7E8804410C1F40AAAAAA\r",
            "T18DAF110804410C1F40AAAAAA\r",
            "t7E8804410C1F40AAAAAAEA5F\r")) {
      assertThat(isProof(text)).as(text).isTrue();
    }
  }

  @Test
  void anythingElseIsNone() {
    for (String text :
        List.of(
            ">",
            "OK>",
            "\u0000\u00FF>",
            "V\r",
            "V101\r",
            "V10134\r",
            "V1013",
            "V10\u00FF3\r",
            "V1013\u0007",
            "?V1013\r",
            "t7E8804410C1F40AAAAA\r",
            "7E804410C1F40AAAAAA\r",
            "\r\r\r")) {
      assertThat(isProof(text)).as(text).isFalse();
    }
  }

  @Test
  void proofIsFoundHoweverTheBytesAreCut() {
    for (String text : List.of("OK\r\r>", "\u0007V1013\r", "z\rt7E8804410C1F40AAAAAA\r")) {
      byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
      for (int cut = 0; cut <= bytes.length; cut++) {
        RateProof proof = new RateProof();
        byte[] rest = new byte[bytes.length - cut];
        System.arraycopy(bytes, cut, rest, 0, rest.length);
        boolean isProven = proof.isIn(bytes, cut);
        isProven |= proof.isIn(rest, rest.length);
        assertThat(isProven).as("%s cut at %d", text, cut).isTrue();
      }
    }
  }

  @Test
  void chanceHardlyEverProves() {
    long seed = 6;
    Random random = new Random(seed);
    int proofs = 0;
    for (int round = 0; round < 20_000; round++) {
      byte[] noise = new byte[20];
      random.nextBytes(noise);
      proofs += new RateProof().isIn(noise, noise.length) ? 1 : 0;
    }
    // A prompt behind four plain characters: 20 places, 1/256 times (97/256)^4, 0.16 %.
    assertThat(proofs).as("seed %d", seed).isLessThan(80);
  }

  private static boolean isProof(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return new RateProof().isIn(bytes, bytes.length);
  }
}
