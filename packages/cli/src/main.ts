console.log("hi");
