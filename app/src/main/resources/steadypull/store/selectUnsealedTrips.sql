select trip_key, id from trip where sealed = 0 order by start_epoch_micros, trip_key
