insert into event (trip_key, sequence, time_micros, kind, detail)
values (:tripKey, :sequence, :timeMicros, :kind, :detail)
