console.log("casting");
