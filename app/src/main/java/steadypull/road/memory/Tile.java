package steadypull.road.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The nodes of the road graph in one tile, in plain arrays of some 30 octets a node. A node keeps
 * its index for ever, because neighbouring tiles link to it; a forgotten one is wiped and its index
 * stays unused. One thread.
 */
final class Tile {
  /** Links beside the first of a node are few: where ways part. */
  record Extra(int from, int step, int to, int count) {}

  static final int MOST_NODES = 1 << 24;

  /** Within the same tile, see {@link RoadGraph}: steps count the nine tiles around from 0 to 8. */
  static final int STAY = 4;

  static final int NO_LINK = -1;

  int size;
  int[] latitudeMicros = new int[0];
  int[] longitudeMicros = new int[0];
  short[] grade = new short[0];
  short[] gradeError = new short[0];
  byte[] placeError = new byte[0];
  short[] passes = new short[0];
  short[] day = new short[0];
  byte[] linkStep = new byte[0];
  int[] linkTo = new int[0];
  short[] linkCount = new short[0];
  final List<Extra> extras = new ArrayList<>();

  /** Makes room for a node and says its index. */
  int grow() {
    if (size == latitudeMicros.length) {
      resize(size + Math.max(16, size / 4));
    }
    linkTo[size] = NO_LINK;
    return size++;
  }

  void resize(int length) {
    latitudeMicros = Arrays.copyOf(latitudeMicros, length);
    longitudeMicros = Arrays.copyOf(longitudeMicros, length);
    grade = Arrays.copyOf(grade, length);
    gradeError = Arrays.copyOf(gradeError, length);
    placeError = Arrays.copyOf(placeError, length);
    passes = Arrays.copyOf(passes, length);
    day = Arrays.copyOf(day, length);
    linkStep = Arrays.copyOf(linkStep, length);
    linkTo = Arrays.copyOf(linkTo, length);
    linkCount = Arrays.copyOf(linkCount, length);
  }

  /** Whether something is known at an index; a wiped node has no error. */
  boolean isKnown(int index) {
    return index >= 0 && index < size && gradeError[index] != 0;
  }

  boolean isEmpty() {
    for (int index = 0; index < size; index++) {
      if (isKnown(index)) {
        return false;
      }
    }
    return true;
  }

  /** Adds to the count of a link, which begins to exist with the first time. */
  void link(int from, int step, int to, int times) {
    if (linkTo[from] == NO_LINK) {
      linkStep[from] = (byte) step;
      linkTo[from] = to;
      linkCount[from] = (short) times;
    } else if (linkTo[from] == to && linkStep[from] == step) {
      linkCount[from] = capped(linkCount[from] + times);
    } else {
      linkAside(from, step, to, times);
    }
  }

  private void linkAside(int from, int step, int to, int times) {
    for (int i = 0; i < extras.size(); i++) {
      Extra extra = extras.get(i);
      if (extra.from == from && extra.step == step && extra.to == to) {
        extras.set(i, new Extra(from, step, to, capped(extra.count + times)));
        return;
      }
    }
    extras.add(new Extra(from, step, to, times));
  }

  /** Wipes a node, with all links from it. */
  void wipe(int index) {
    latitudeMicros[index] = 0;
    longitudeMicros[index] = 0;
    grade[index] = 0;
    gradeError[index] = 0;
    placeError[index] = 0;
    passes[index] = 0;
    day[index] = 0;
    linkStep[index] = 0;
    linkTo[index] = NO_LINK;
    linkCount[index] = 0;
    extras.removeIf(extra -> extra.from == index);
  }

  static short capped(int count) {
    return (short) Math.min(Short.MAX_VALUE, count);
  }

  /** Octets in memory, about: arrays as long as they are, 40 for an extra link. */
  long octets() {
    return 29L * latitudeMicros.length + 40L * extras.size() + 200;
  }
}
