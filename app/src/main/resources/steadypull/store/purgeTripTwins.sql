delete from trip_twin where trip_key in (select trip_key from trip where removed = 2)
