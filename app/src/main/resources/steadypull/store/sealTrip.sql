update trip set sealed = 1 where trip_key = :tripKey
