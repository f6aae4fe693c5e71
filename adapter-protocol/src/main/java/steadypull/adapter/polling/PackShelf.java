package steadypull.adapter.polling;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Keeps requests for several parameters, so that one that goes out again and again is made once.
 * Emptied when it is full. Used by one thread.
 */
final class PackShelf {
  private static final int PLACES = 1024;
  private static final int MOST = PLACES / 2;
  private static final int BITS = 8;

  private final long[] keys = new long[PLACES];
  private final PollRequest.@Nullable CurrentData[] packs =
      new PollRequest.@Nullable CurrentData[PLACES];
  private int count;

  /**
   * The request for so many parameters, the order of which does not matter.
   *
   * @param numbers 1 to 0xFF, each once; sorted by this call
   */
  PollRequest.CurrentData of(int[] numbers, int size) {
    sort(numbers, size);
    long key = 0;
    for (int i = 0; i < size; i++) {
      key = (key << BITS) | numbers[i];
    }
    int place = place(key);
    PollRequest.CurrentData kept = packs[place];
    return kept != null ? kept : keep(place, key, numbers, size);
  }

  private int place(long key) {
    int place = (int) ((key * 0x9E3779B97F4A7C15L) >>> 54);
    while (packs[place] != null && keys[place] != key) {
      place = (place + 1) % PLACES;
    }
    return place;
  }

  private PollRequest.CurrentData keep(int place, long key, int[] numbers, int size) {
    List<Integer> parameters = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      parameters.add(numbers[i]);
    }
    PollRequest.CurrentData made = new PollRequest.CurrentData(parameters);
    if (count == MOST) {
      Arrays.fill(packs, null);
      count = 0;
      return made;
    }
    keys[place] = key;
    packs[place] = made;
    count++;
    return made;
  }

  private static void sort(int[] numbers, int size) {
    for (int i = 1; i < size; i++) {
      int number = numbers[i];
      int at = i;
      for (; at > 0 && numbers[at - 1] > number; at--) {
        numbers[at] = numbers[at - 1];
      }
      numbers[at] = number;
    }
  }
}
