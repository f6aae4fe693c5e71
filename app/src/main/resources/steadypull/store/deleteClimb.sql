delete from climb where id = :id
