insert into vehicle (name, vehicle_file, used_order)
values (:name, :vehicleFile, (select coalesce(max(used_order), 0) + 1 from vehicle))
on conflict (name) do update
set vehicle_file = excluded.vehicle_file, used_order = excluded.used_order
