package steadypull.drive;

import java.util.concurrent.CompletableFuture;

/** A live drive that tells when and how it ended. */
public interface RunningDrive extends DriveSession {

  /** Completes when the drive has ended and its trip is sealed. */
  CompletableFuture<DriveOutcome> outcome();
}
