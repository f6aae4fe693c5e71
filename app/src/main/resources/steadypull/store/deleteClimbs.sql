delete from climb
