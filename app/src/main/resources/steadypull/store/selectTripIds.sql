select id from trip where removed = 0 order by start_epoch_micros desc, trip_key desc
