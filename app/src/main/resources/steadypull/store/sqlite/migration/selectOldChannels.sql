select channel_key from trip_channel where trip_key = :tripKey order by position
