select from_micros, to_micros from gap where trip_key = :tripKey order by from_micros
