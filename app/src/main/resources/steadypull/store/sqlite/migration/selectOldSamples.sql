select channel_key, time_micros, value from sample where trip_key = :tripKey order by sequence
