select sequence, time_micros, kind, detail from old_event where trip_key = :tripKey order by sequence
