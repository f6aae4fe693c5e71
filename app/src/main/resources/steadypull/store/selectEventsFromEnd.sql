select sequence, after_samples, time_micros, kind, detail
from event
where trip_key = :tripKey
order by sequence desc
