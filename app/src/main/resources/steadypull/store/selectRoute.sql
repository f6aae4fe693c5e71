select name, route_file from route where id = :id
