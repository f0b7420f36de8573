using System.Text.Json.Serialization;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files.Json;

/// <summary>What the source generator makes; <see cref="BallSimJson"/> shows of it what is meant to be used.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, WriteIndented = true, NewLine = "\n", Converters =
[
    typeof(LayoutConverter), typeof(AxisConverter), typeof(BoreConverter), typeof(GripConverter), typeof(ReleaseConverter), typeof(ScatterConverter), typeof(CoverConverter), typeof(FinishConverter),
    typeof(FrictionConverter), typeof(OptionsConverter), typeof(EnsembleOptionsConverter), typeof(VectorConverter), typeof(RotationConverter), typeof(InertiaConverter), typeof(StateConverter), typeof(BallConverter),
    typeof(BallSheetConverter), typeof(DrawingConverter), typeof(FinishSheetConverter), typeof(OilSheetConverter), typeof(LaneSheetConverter), typeof(BowlerConverter), typeof(ScenarioConverter),
    typeof(OilMapConverter), typeof(FrictionMapConverter), typeof(TopographyConverter), typeof(LaneConverter),
])]
[JsonSerializable(typeof(Layout))]
[JsonSerializable(typeof(PositiveAxisPoint))]
[JsonSerializable(typeof(Bore))]
[JsonSerializable(typeof(Grip))]
[JsonSerializable(typeof(Release))]
[JsonSerializable(typeof(Scatter))]
[JsonSerializable(typeof(Cover))]
[JsonSerializable(typeof(Finish))]
[JsonSerializable(typeof(FrictionCalibration))]
[JsonSerializable(typeof(SimulatorOptions))]
[JsonSerializable(typeof(EnsembleOptions))]
[JsonSerializable(typeof(Vector3D))]
[JsonSerializable(typeof(Rotation))]
[JsonSerializable(typeof(InertiaTensor))]
[JsonSerializable(typeof(InitialState))]
[JsonSerializable(typeof(Ball))]
[JsonSerializable(typeof(BallSheet))]
[JsonSerializable(typeof(BallDrawing))]
[JsonSerializable(typeof(FinishSheet))]
[JsonSerializable(typeof(OilSheet))]
[JsonSerializable(typeof(LaneSheet))]
[JsonSerializable(typeof(Bowler))]
[JsonSerializable(typeof(Scenario))]
[JsonSerializable(typeof(OilMap))]
[JsonSerializable(typeof(FrictionMap))]
[JsonSerializable(typeof(Topography))]
[JsonSerializable(typeof(Lane))]
internal sealed partial class BallSimJsonContext : JsonSerializerContext;
