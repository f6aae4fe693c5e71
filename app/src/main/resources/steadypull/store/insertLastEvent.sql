insert into event (trip_key, sequence, after_samples, time_micros, kind, detail)
select trip_key,
       (select coalesce(max(sequence), -1) + 1 from event where event.trip_key = trip.trip_key),
       sample_count, reached_micros, :kind, :detail
from trip
where trip_key = :tripKey
