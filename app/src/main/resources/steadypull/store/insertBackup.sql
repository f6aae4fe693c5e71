insert into backup (taken_epoch_millis) values (:takenEpochMillis)
