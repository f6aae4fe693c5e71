select sample_count, last_sample_micros
from trip
where trip_key = :tripKey
