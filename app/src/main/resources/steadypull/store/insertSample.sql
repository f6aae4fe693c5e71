insert into sample (trip_key, sequence, time_micros, channel_key, value)
values (:tripKey, :sequence, :timeMicros, :channelKey, :value)
