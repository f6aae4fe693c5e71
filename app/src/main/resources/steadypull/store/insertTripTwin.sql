insert into trip_twin
select trip.*, 1 from trip where trip_key = :tripKey and sealed = 1 and removed <> 2
