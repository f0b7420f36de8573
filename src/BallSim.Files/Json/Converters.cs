using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Ensembles;
using BallSim.Friction;
using BallSim.Lanes;
using BallSim.Releases;
using BallSim.Shots;

namespace BallSim.Files.Json;

// One for each value; how it is written stands in the tables and in ScenarioWriter and StudyWriter, how it is read in PartReader and StudyReader.
internal sealed class LayoutConverter() : PartConverter<Layout>((w, v) => StudyWriter.Whole(w, Shapes.Layout, v), f => Shapes.Layout.Read(f.Members(Shapes.Layout.Names), default, "pinToAxis", "angleAtPin", "angleAtAxis"));

internal sealed class AxisConverter() : PartConverter<PositiveAxisPoint>(StudyWriter.Axis, StudyReader.Axis);

internal sealed class BoreConverter() : PartConverter<Bore>((w, v) => StudyWriter.Whole(w, Shapes.Bore, v), f => Shapes.Bore.Read(f.Members(Shapes.Bore.Names), new(0.0254, 0.0254), "diameter", "depth"));

internal sealed class GripConverter() : PartConverter<Grip>(ScenarioWriter.Grip, PartReader.Grip);

internal sealed class ReleaseConverter() : PartConverter<Release>(StudyWriter.Release, StudyReader.Release);

internal sealed class ScatterConverter() : PartConverter<Scatter>((w, v) => StudyWriter.Whole(w, Shapes.Scatter, v), f => Shapes.Scatter.Read(f.Members(Shapes.Scatter.Names), new()));

internal sealed class CoverConverter() : PartConverter<Cover>(ScenarioWriter.Cover, PartReader.Cover);

internal sealed class FinishConverter() : PartConverter<Finish>(StudyWriter.Finish, StudyReader.Finish);

internal sealed class FrictionConverter() : PartConverter<FrictionCalibration>((w, v) => StudyWriter.Whole(w, Shapes.Friction, v), f => Shapes.Friction.Read(f.Members(Shapes.Friction.Names), new()));

internal sealed class OptionsConverter() : PartConverter<SimulatorOptions>(StudyWriter.Options, StudyReader.Options);

internal sealed class EnsembleOptionsConverter() : PartConverter<EnsembleOptions>(StudyWriter.Ensemble, StudyReader.Ensemble);

internal sealed class VectorConverter() : PartConverter<Vector3D>((w, v) => StudyWriter.Whole(w, DrawingShapes.Direction, v), f => DrawingShapes.Direction.Read(f.Members(DrawingShapes.Direction.Names), default, "x", "y", "z"));

internal sealed class RotationConverter() : PartConverter<Rotation>((w, v) => StudyWriter.Whole(w, StudyShapes.Rotation, v), f => StudyShapes.Rotation.Read(f.Members(StudyShapes.Rotation.Names), default, "w", "x", "y", "z"));

internal sealed class InertiaConverter() : PartConverter<InertiaTensor>((w, v) => StudyWriter.Whole(w, StudyShapes.Inertia, v), f => StudyShapes.Inertia.Read(f.Members(StudyShapes.Inertia.Names), default, "xx", "yy", "zz"));

internal sealed class StateConverter() : PartConverter<InitialState>(StudyWriter.State, StudyReader.State);

internal sealed class BallConverter() : PartConverter<Ball>(StudyWriter.Ball, StudyReader.Ball);

internal sealed class BallSheetConverter() : PartConverter<BallSheet>(ScenarioWriter.Ball, PartReader.Ball);

internal sealed class DrawingConverter() : PartConverter<BallDrawing>(DrawingWriter.Whole, DrawingReader.Own);

internal sealed class FinishSheetConverter() : PartConverter<FinishSheet>(ScenarioWriter.Finish, PartReader.Finish);

internal sealed class OilSheetConverter() : PartConverter<OilSheet>(ScenarioWriter.Oil, PartReader.Oil);

internal sealed class LaneSheetConverter() : PartConverter<LaneSheet>(ScenarioWriter.Lane, PartReader.Lane);

internal sealed class BowlerConverter() : PartConverter<Bowler>(ScenarioWriter.Bowler, PartReader.Bowler);

internal sealed class ScenarioConverter() : PartConverter<Scenario>(ScenarioWriter.Whole, ScenarioReader.From);

internal sealed class OilMapConverter() : PartConverter<OilMap>(LaneJsonParts.Write, LaneJsonParts.Oil);

internal sealed class FrictionMapConverter() : PartConverter<FrictionMap>((w, v) => LaneJsonParts.Write(w, v.Cells), f => f.Built(() => FrictionMap.FromCells(LaneJsonParts.Cells(f.Members(LaneJsonParts.CellNames)))));

internal sealed class TopographyConverter() : PartConverter<Topography>(LaneJsonParts.Write, LaneJsonParts.Surface);

internal sealed class LaneConverter() : PartConverter<Lane>(LaneJsonParts.Write, LaneJsonParts.Lane);
