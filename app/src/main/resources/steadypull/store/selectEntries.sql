select sequence, time_micros, channel_key, value, null as kind, null as detail
from sample where trip_key = :tripKey
union all
select sequence, time_micros, null, null, kind, detail
from event where trip_key = :tripKey
order by sequence
