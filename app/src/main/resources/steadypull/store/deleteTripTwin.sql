delete from trip_twin where trip_key = :tripKey
