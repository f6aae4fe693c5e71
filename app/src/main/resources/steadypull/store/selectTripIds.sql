select id from trip order by start_epoch_micros desc, trip_key desc
