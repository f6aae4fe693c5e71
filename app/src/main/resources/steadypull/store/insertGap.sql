insert into gap (trip_key, from_micros, to_micros) values (:tripKey, :fromMicros, :toMicros)
