update trip set removed = 0 where trip_key = :tripKey
