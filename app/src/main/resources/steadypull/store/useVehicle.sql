update vehicle
set used_order = (select max(used_order) + 1 from vehicle)
where name = :name
