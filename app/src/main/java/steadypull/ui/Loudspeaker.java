package steadypull.ui;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.concurrent.Executor;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import steadypull.advice.Level;
import steadypull.tablet.SpeechCommand;

/**
 * Plays tones on the machine's usual output and speaks through the platform's own command where
 * there is one. A machine without either stays silent: what is said stands on the screen. Any
 * thread; the work is done on the executor given.
 */
final class Loudspeaker implements Voice {
  private static final AudioFormat FORMAT =
      new AudioFormat(SignalTone.RATE, Short.SIZE, 1, /* signed= */ true, /* bigEndian= */ false);

  /** A tone comes first and words a little later (common practice, no source). */
  private static final double PAUSE_SECONDS = 0.4;

  private final SpeechCommand speech;
  private final Executor executor;

  Loudspeaker(SpeechCommand speech, Executor executor) {
    this.speech = speech;
    this.executor = executor;
  }

  @Override
  public void say(Level level, double volume, String words) {
    executor.execute(() -> sayNow(level, volume, words));
  }

  private void sayNow(Level level, double volume, String words) {
    play(SignalTone.of(level, volume));
    if (!words.isEmpty()) {
      speech.speak(words);
    }
  }

  private static void play(short[] tone) {
    ByteBuffer bytes =
        ByteBuffer.allocate(2 * (tone.length + (int) (PAUSE_SECONDS * SignalTone.RATE)))
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.asShortBuffer().put(tone);
    try (SourceDataLine line = AudioSystem.getSourceDataLine(FORMAT)) {
      line.open(FORMAT);
      line.start();
      line.write(bytes.array(), 0, bytes.capacity());
      line.drain();
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException silent) {
      // No output, or somebody else has it: the screen says the same.
      return;
    }
  }
}
