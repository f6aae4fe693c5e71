insert into event (trip_key, sequence, after_samples, time_micros, kind, detail)
values (:tripKey, :sequence, :afterSamples, :timeMicros, :kind, :detail)
