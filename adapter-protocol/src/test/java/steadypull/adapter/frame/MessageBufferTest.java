package steadypull.adapter.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;

class MessageBufferTest {
  private final MessageBuffer buffer = new MessageBuffer();
  private final OctetWindow window = new OctetWindow();

  @Test
  void messagesComeOutAsTheyWentInHoweverManyAndLong() {
    long seed = 3;
    Random random = new Random(seed);
    byte[][] payloads = new byte[50][];
    for (int i = 0; i < payloads.length; i++) {
      payloads[i] = new byte[1 + random.nextInt(300)];
      random.nextBytes(payloads[i]);
      buffer.add("7E" + i, payloads[i], 0, payloads[i].length);
    }

    assertThat(buffer.count()).isEqualTo(50);
    for (int i = 0; i < payloads.length; i++) {
      assertThat(buffer.message(i)).isEqualTo(new Message("7E" + i, Payload.of(payloads[i])));
    }
  }

  @Test
  void windowShowsAPartAndNothingBeyond() {
    buffer.add(new Message("7E9", Payload.ofHex("4100")));
    buffer.add(new Message("7E8", Payload.ofHex("410C1F40")));

    buffer.show(window, 1, 2, 4);

    assertThat(window.size()).isEqualTo(2);
    assertThat(window.at(0)).isEqualTo(0x1F);
    assertThatThrownBy(() -> window.at(2)).isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> buffer.show(window, 1, 2, 5))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void nothingOfTheLastReplyIsLeft() {
    buffer.add(new Message("7E8", Payload.ofHex("410C1F40")));

    buffer.clear();

    assertThat(buffer.messages()).isEmpty();
    assertThatThrownBy(() -> buffer.sender(0)).isInstanceOf(IndexOutOfBoundsException.class);
  }
}
