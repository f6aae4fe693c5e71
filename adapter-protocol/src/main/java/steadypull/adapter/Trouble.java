package steadypull.adapter;

/** Why polling or a start came to an end. A closed set. */
sealed interface Trouble {

  /** The adapter answers, the vehicle does not. */
  record VehicleQuiet(SilenceCause cause, String found) implements Trouble {}

  /** Nothing is wrong: the engine is off, and the vehicle is to be left alone. */
  record EngineOff() implements Trouble {}

  /** The adapter lost its settings and has to be set up again. */
  record AdapterRestarted(String text) implements Trouble {}

  /** The adapter says what no adapter should say here. */
  record AdapterConfused(String heard) implements Trouble {}

  /** No prompt comes any more. */
  record AdapterMute() implements Trouble {}

  /** The reader is to stop. */
  record Stopping() implements Trouble {}
}
