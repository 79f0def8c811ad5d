using LubeController.Plant.Pistons;

namespace LubeController.Plant;


/// <summary>What the divider does, and, if it is blocked, where.</summary>
/// <param name="State">What it does.</param>
/// <param name="Section">Index of the section whose piston is kept, else -1.</param>
/// <param name="Side">The side whose port would be discharged.</param>
/// <param name="Outlet">Index of that port's outlet, else -1.</param>
/// <param name="InletBlocked">True if the divider's inlet is what is blocked.</param>
public readonly record struct PlantStatus(DividerState State, int Section, Side Side, int Outlet, bool InletBlocked);
